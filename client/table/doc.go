// Package table reads a YAML file by a field table: what each field may hold, in which unit and range. It gives values with their places, errors
// that say what would be accepted, and the editor's schema. It never knows what a file is about.
//
//	rule.go    what a line of the table can say
//	walk.go    tree against table: values with their places, or errors
//	schema.go  the table as JSON Schema
package table
