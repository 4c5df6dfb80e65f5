package strength

// KeepNothing makes limit states work out everything anew for every load, until it is called with false.
func KeepNothing(on bool) { keepNothing = on }
