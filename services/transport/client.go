package transport

import (
	"crypto/tls"
	"errors"
	"fmt"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/credentials/insecure"
)

// Client says how a client secures its connections. The zero value speaks plaintext to this machine and TLS, under the system's
// authorities, to any other.
type Client struct {
	CA         string           // file of the authorities that the server's certificate is from; empty: the system's
	Cert, Key  string           // files of the client's own certificate, where the server asks for one
	ServerName string           // name in the server's certificate; empty: the host that is dialled
	TokenFile  string           // file with the bearer token
	Now        func() time.Time // clock that certificates are held against; nil: this machine's
}

// tls says whether the client asks for TLS on this machine too.
func (c Client) tls() bool { return c.CA != "" || c.Cert != "" || c.Key != "" || c.ServerName != "" }

// Options are the dial options for one address. A token goes over TLS, or stays on this machine.
func (c Client) Options(addr string) ([]grpc.DialOption, error) {
	secure := c.tls() || !stays(addr)
	creds := insecure.NewCredentials()
	if secure {
		config, err := c.config()
		if err != nil {
			return nil, err
		}
		creds = credentials.NewTLS(config)
	}
	options := []grpc.DialOption{grpc.WithTransportCredentials(creds)}
	if c.TokenFile == "" {
		return options, nil
	}
	token, err := readToken(c.TokenFile)
	if err != nil {
		return nil, err
	}
	return append(options, grpc.WithPerRPCCredentials(bearer{token, secure})), nil
}

func (c Client) config() (*tls.Config, error) {
	config := &tls.Config{MinVersion: tls.VersionTLS13, ServerName: c.ServerName, Time: c.Now}
	var err error
	if c.CA != "" {
		if config.RootCAs, err = authorities(c.CA); err != nil {
			return nil, fmt.Errorf("authorities: %w", err)
		}
	}
	if (c.Cert == "") != (c.Key == "") {
		return nil, errors.New("a certificate needs its key and a key its certificate; give both")
	}
	if c.Cert != "" {
		pair, err := keyPair(c.Cert, c.Key)
		if err != nil {
			return nil, err
		}
		config.Certificates = []tls.Certificate{pair}
	}
	return config, nil
}
