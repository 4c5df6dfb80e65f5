// Package run takes a job through the services: every bracket built, then checked. It never reads flags, prints or writes a file.
package run
