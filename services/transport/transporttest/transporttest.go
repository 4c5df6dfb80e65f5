// Package transporttest makes authorities and certificates for tests. It is never linked into a program.
package transporttest

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"math/big"
	"net"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// Authority signs certificates. Its own is in File.
type Authority struct {
	File string
	cert *x509.Certificate
	key  *ecdsa.PrivateKey
	dir  string
}

// Pair are the files of a certificate and its key.
type Pair struct{ Cert, Key string }

// New makes an authority whose files are gone when the test ends.
func New(t testing.TB, name string) *Authority {
	t.Helper()
	a := &Authority{dir: t.TempDir(), key: newKey(t)}
	a.File = filepath.Join(a.dir, "authority.pem")
	a.cert = &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: name},
		NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().AddDate(20, 0, 0),
		IsCA: true, BasicConstraintsValid: true, KeyUsage: x509.KeyUsageCertSign,
	}
	der := sign(t, a.cert, a.cert, a.key, a.key)
	var err error
	if a.cert, err = x509.ParseCertificate(der); err != nil {
		t.Fatal(err)
	}
	write(t, a.File, "CERTIFICATE", der)
	return a
}

// Issue makes a certificate for 127.0.0.1, localhost and a name of its own, for servers and clients alike, valid for so long from an hour ago on.
func (a *Authority) Issue(t testing.TB, name string, valid time.Duration) Pair {
	t.Helper()
	key := newKey(t)
	from := time.Now().Add(-time.Hour)
	der := sign(t, &x509.Certificate{
		SerialNumber: big.NewInt(time.Now().UnixNano()), Subject: pkix.Name{CommonName: name},
		NotBefore: from, NotAfter: from.Add(valid),
		DNSNames: []string{"localhost", name}, IPAddresses: []net.IP{net.IPv4(127, 0, 0, 1)},
		KeyUsage: x509.KeyUsageDigitalSignature, ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth, x509.ExtKeyUsageClientAuth},
	}, a.cert, key, a.key)
	keyDER, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	p := Pair{filepath.Join(dir, name+".pem"), filepath.Join(dir, name+".key")}
	write(t, p.Cert, "CERTIFICATE", der)
	write(t, p.Key, "PRIVATE KEY", keyDER)
	return p
}

// Copy puts a pair's files in the place of another's, as a renewal does.
func (p Pair) Copy(t testing.TB, to Pair) {
	t.Helper()
	for from, to := range map[string]string{p.Cert: to.Cert, p.Key: to.Key} {
		b, err := os.ReadFile(from)
		if err != nil {
			t.Fatal(err)
		}
		Replace(t, to, b)
	}
}

// Replace puts a file in the place of another in one step.
func Replace(t testing.TB, file string, b []byte) {
	t.Helper()
	if err := os.WriteFile(file+".new", b, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(file+".new", file); err != nil {
		t.Fatal(err)
	}
}

// Token writes a token into a file of its own.
func Token(t testing.TB, token string) (file string) {
	t.Helper()
	file = filepath.Join(t.TempDir(), "token")
	Replace(t, file, []byte(token+"\n"))
	return file
}

func newKey(t testing.TB) *ecdsa.PrivateKey {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return key
}

func sign(t testing.TB, cert, by *x509.Certificate, key, byKey *ecdsa.PrivateKey) []byte {
	t.Helper()
	der, err := x509.CreateCertificate(rand.Reader, cert, by, &key.PublicKey, byKey)
	if err != nil {
		t.Fatal(err)
	}
	return der
}

func write(t testing.TB, file, kind string, der []byte) {
	t.Helper()
	if err := os.WriteFile(file, pem.EncodeToMemory(&pem.Block{Type: kind, Bytes: der}), 0o600); err != nil {
		t.Fatal(err)
	}
}
