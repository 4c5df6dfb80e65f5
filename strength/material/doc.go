// Package material gives the grades a shop builds with: plate, bar, shapes, bolts, electrodes and thread sizes,
// each number with the table it comes from and a mark where it was written from memory.
// It never applies a factor, never judges a joint, and never reads a file.
package material
