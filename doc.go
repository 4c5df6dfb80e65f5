// Package lugwright holds no code: it is the front door of the repository. README.md says what lugwright does,
// DEVELOPERS.md where everything is. The tests beside this file hold the rules of the house: who may import whom, and
// that every folder the guide names exists.
package lugwright
