// Package reference x. It never y.
package reference
