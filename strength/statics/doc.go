// Package statics does the mechanics of bolt groups, weld groups, thin sections, pins and rigid bodies on supports, on plain numbers.
// It never knows a bracket, a material, a design standard or a factor.
//
// Units are N, mm, N*mm and rad. Nothing here allocates in steady state, rigid bodies apart: results go into slices the caller
// owns or come back as small structs. Every rule is elementary statics unless the function names a source.
package statics
