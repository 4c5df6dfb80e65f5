package command

// This file reaches the services and reads the job.

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/client/shopfile"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/services/server"
)

// withServices calls do with a client of the services.
func (s *session) withServices(c *cli.Context, do func(ctx context.Context, client *dial.Client) error) error {
	timeout := c.Duration("timeout")
	if timeout <= 0 {
		return &usageError{fmt.Sprintf("--timeout %s is not a time to wait", timeout), "write a time such as 30s or 5m"}
	}
	client, err := dial.Remote(c.String("geometry"), c.String("strength"), dial.Options{Timeout: timeout, Security: security(c)})
	if err != nil {
		return &usageError{err.Error(), "without --geometry and --strength the services run in this process"}
	}
	defer client.Close()
	return do(c.Context, client)
}

// security is what the options say of connections. The token's file may also come by environment, as it does for serve.
func security(c *cli.Context) dial.Security {
	return dial.Security{
		CA: c.String("ca"), Cert: c.String("cert"), Key: c.String("key"), ServerName: c.String("server-name"),
		TokenFile: cmp.Or(c.String(tokenFlag), os.Getenv(server.Variable(tokenFlag))),
	}
}

// readJob reads a job file against what the services list.
func readJob(ctx context.Context, client *dial.Client, path string) (*job.Job, error) {
	src, err := readFile(path)
	if err != nil {
		return nil, &usageError{err.Error(), "`lugwright new DIR` writes a job to begin with"}
	}
	known, err := run.Known(ctx, client)
	if err != nil {
		return nil, err
	}
	j, err := job.Read(path, src, known)
	if err != nil {
		return nil, err
	}
	return j, takeShop(j)
}

// takeShop reads the shop that the job names: a shipped one, or a file beside the job.
func takeShop(j *job.Job) error {
	if j.ShopName == "" {
		return nil
	}
	file := j.ShopName
	src, ok := shopfile.Shipped(file)
	if !ok {
		if !filepath.IsAbs(file) {
			file = filepath.Join(filepath.Dir(j.File), file)
		}
		var err error
		if src, err = readFile(file); err != nil {
			return j.AtShop(err.Error(), "one of "+strings.Join(shopfile.Names(), ", ")+", or a shop file beside the job"+part.Nearest(j.ShopName, shopfile.Names()))
		}
	}
	s, err := shopfile.Read(file, src)
	if err != nil {
		return err
	}
	j.Shop = *s
	return nil
}

// readFile reads one byte more than a job may have, so that a huge file is refused and not loaded.
func readFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, plainPathError(err)
	}
	defer f.Close()
	src, err := io.ReadAll(io.LimitReader(f, job.LargestFile+1))
	return src, plainPathError(err)
}

// plainPathError drops the system call's name: "job.yaml: no such file or directory".
func plainPathError(err error) error {
	var path *os.PathError
	if errors.As(err, &path) {
		return fmt.Errorf("%s: %w", path.Path, path.Err)
	}
	return err
}
