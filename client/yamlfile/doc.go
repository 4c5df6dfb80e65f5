// Package yamlfile reads a YAML file into a tree that is safe to walk, with the place of everything in it, and holds the errors of such a
// file. It never knows what the fields mean.
//
//	syntax.go  Tree: one document, no anchors, no great depth; scalars as written
//	errors.go  Error: file:line:column, field, what was found, what would be accepted
package yamlfile
