package transport

import (
	"context"
	"crypto/sha256"
	"crypto/subtle"
	"fmt"
	"log/slog"
	"strings"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"
)

// leastToken keeps empty files and words out; a token is made by a machine.
const leastToken, mostToken = 16, 4096

const authorization, bearerPrefix = "authorization", "Bearer "

// readToken reads a token: one line of printable ASCII without spaces. The error never shows it.
func readToken(file string) (string, error) {
	b, err := readFile(file)
	if err != nil {
		return "", fmt.Errorf("--token-file: %w", err)
	}
	token := strings.TrimSpace(string(b))
	outside := func(r rune) bool { return r <= ' ' || r > '~' }
	found := ""
	switch {
	case token == "":
		found = "no token in it"
	case strings.ContainsFunc(token, outside):
		found = "more than one word in it, or letters that are not ASCII"
	case len(token) < leastToken || len(token) > mostToken:
		found = fmt.Sprintf("a token of %d letters", len(token))
	default:
		return token, nil
	}
	return "", fmt.Errorf("--token-file %s: %s; one line of %d to %d letters, digits and signs is taken, without spaces", file, found, leastToken, mostToken)
}

// bearer adds the token to each call.
type bearer struct {
	token  string
	secure bool
}

func (b bearer) GetRequestMetadata(context.Context, ...string) (map[string]string, error) {
	return map[string]string{authorization: bearerPrefix + b.token}, nil
}

// RequireTransportSecurity has gRPC refuse a connection that would show the token.
func (b bearer) RequireTransportSecurity() bool { return b.secure }

// Gate lets calls with the right token in.
type Gate struct {
	digest *kept[[sha256.Size]byte]
}

// NewGate reads the token from a file, and again when the file changes.
func NewGate(file string, log *slog.Logger) (*Gate, error) {
	digest, err := keep("token", log, func() ([sha256.Size]byte, error) {
		token, err := readToken(file)
		return sha256.Sum256([]byte(token)), err
	}, file)
	if err != nil {
		return nil, err
	}
	return &Gate{digest}, nil
}

var errToken = status.Error(codes.Unauthenticated, "the token is missing or not the right one")

// Admit refuses a call without the token. Digests are compared in constant time, so the answer's delay tells nothing about the token.
func (g *Gate) Admit(header metadata.MD) error {
	given := ""
	if values := header.Get(authorization); len(values) == 1 && strings.HasPrefix(values[0], bearerPrefix) {
		given = values[0][len(bearerPrefix):]
	}
	got, want := sha256.Sum256([]byte(given)), g.digest.get()
	if subtle.ConstantTimeCompare(got[:], want[:]) != 1 {
		return errToken
	}
	return nil
}
