package transport

import (
	"crypto/tls"
	"crypto/x509"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"time"

	"google.golang.org/grpc/credentials"
)

// ServerFiles are a server's certificate chain and its key, and the authorities whose clients alone are let in; all PEM.
type ServerFiles struct {
	Cert, Key string
	ClientCA  string // empty: any client
}

// Server gives a server's side of TLS 1.3. The files are read again, at a handshake, when they have changed; now is the clock
// that certificates are held against, nil for this machine's.
func Server(files ServerFiles, now func() time.Time, log *slog.Logger) (credentials.TransportCredentials, error) {
	if files.Cert == "" || files.Key == "" {
		return nil, errors.New("a certificate needs its key and a key its certificate; give both")
	}
	if now == nil {
		now = time.Now
	}
	names := []string{files.Cert, files.Key}
	if files.ClientCA != "" {
		names = append(names, files.ClientCA)
	}
	config, err := keep("certificate", log, func() (*tls.Config, error) { return serverConfig(files, now) }, names...)
	if err != nil {
		return nil, err
	}
	return &told{credentials.NewTLS(&tls.Config{
		MinVersion:         tls.VersionTLS13,
		GetConfigForClient: func(*tls.ClientHelloInfo) (*tls.Config, error) { return config.get(), nil },
	}), log}, nil
}

// told logs why a connection is refused: in TLS 1.3 a client whose certificate is refused often sees no more than a closed connection.
type told struct {
	credentials.TransportCredentials
	log *slog.Logger
}

func (c *told) ServerHandshake(conn net.Conn) (net.Conn, credentials.AuthInfo, error) {
	secured, info, err := c.TransportCredentials.ServerHandshake(conn)
	if err != nil && !errors.Is(err, io.EOF) { // who only knocks is a probe
		c.log.Warn("connection refused", "peer", conn.RemoteAddr().String(), "reason", err.Error())
	}
	return secured, info, err
}

func serverConfig(files ServerFiles, now func() time.Time) (*tls.Config, error) {
	pair, err := keyPair(files.Cert, files.Key)
	if err != nil {
		return nil, err
	}
	switch leaf := pair.Leaf; {
	case now().After(leaf.NotAfter):
		return nil, fmt.Errorf("%s: the certificate expired on %s; renew it", files.Cert, leaf.NotAfter.UTC().Format(time.DateOnly))
	case now().Before(leaf.NotBefore):
		return nil, fmt.Errorf("%s: the certificate is valid from %s on; this machine's clock says %s", files.Cert,
			leaf.NotBefore.UTC().Format(time.RFC3339), now().UTC().Format(time.RFC3339))
	}
	config := &tls.Config{
		MinVersion:   tls.VersionTLS13,
		Certificates: []tls.Certificate{pair},
		NextProtos:   []string{"h2"},
		Time:         now,
		// A resumed session would go on under authorities that are no longer trusted.
		SessionTicketsDisabled: true,
	}
	if files.ClientCA != "" {
		config.ClientAuth = tls.RequireAndVerifyClientCert
		if config.ClientCAs, err = authorities(files.ClientCA); err != nil {
			return nil, err
		}
	}
	return config, nil
}

func keyPair(cert, key string) (tls.Certificate, error) {
	certPEM, err := readFile(cert)
	if err != nil {
		return tls.Certificate{}, err
	}
	keyPEM, err := readFile(key)
	if err != nil {
		return tls.Certificate{}, err
	}
	pair, err := tls.X509KeyPair(certPEM, keyPEM)
	if err != nil {
		return pair, fmt.Errorf("certificate %s with key %s: %w", cert, key, err)
	}
	return pair, nil
}

func authorities(file string) (*x509.CertPool, error) {
	pem, err := readFile(file)
	if err != nil {
		return nil, err
	}
	pool := x509.NewCertPool()
	if !pool.AppendCertsFromPEM(pem) {
		return nil, fmt.Errorf("%s: no certificate of an authority in it; write PEM", file)
	}
	return pool, nil
}
