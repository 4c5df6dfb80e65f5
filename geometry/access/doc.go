// Package access says whether a bracket can be made and fitted with the tools of a shop: room for the torch at every weld, for a socket at every
// bolt, a way out for every pin, and whether welded parts will line up. It looks at the bracket alone, never at what it is bolted to, and computes no
// strength.
//
//	access.go  the tools' room, and all findings of a bracket
//	solid.go   plates and members as solids, and free paths between them
//	torch.go   welds
//	reach.go   bolts, pins, grease
//	fit.go     tolerance of the weldment against the clearance of holes
package access
