package shop

import "lugwright/part"

// Process is how a plate is cut.
type Process string

const (
	Laser    Process = "laser"
	Plasma   Process = "plasma"
	Waterjet Process = "waterjet"
	OxyFuel  Process = "oxy-fuel"
)

// Processes lists every process.
func Processes() []Process { return []Process{Laser, Plasma, Waterjet, OxyFuel} }

// thermal says whether the cut is made by heat.
func (p Process) thermal() bool { return p != Waterjet }

// Version is a version of the drawing file.
type Version string

const (
	R12   Version = "R12"   // lines, arcs and circles
	R2000 Version = "R2000" // closed polylines
	R2010 Version = "R2010" // as R2000, for shops that refuse older files
)

// Versions lists every version.
func Versions() []Version { return []Version{R12, R2000, R2010} }

// Grouping says what goes into one cut file.
type Grouping string

const (
	OnePart      Grouping = "one part a file"
	OneThickness Grouping = "one file a thickness" // of one material, every piece as often as it is needed
)

// Groupings lists every grouping.
func Groupings() []Grouping { return []Grouping{OnePart, OneThickness} }

// MarkStyle says how part marks are drawn.
type MarkStyle string

const (
	SingleLine MarkStyle = "single line" // for engraving along the line
	OutLines   MarkStyle = "outlines"    // closed outlines of the letters' strokes
	NoMarks    MarkStyle = "none"
)

// MarkStyles lists every style.
func MarkStyles() []MarkStyle { return []MarkStyle{SingleLine, OutLines, NoMarks} }

// Profile is a shop.
type Profile struct {
	Name    string
	Words   string
	Process Process
	Files   Files
	Marks   Marks
	// SmallestHole is the least diameter, and the least width of any other opening, that the shop cuts; SmallestWeb the least steel it
	// leaves between two cuts.
	SmallestHole, SmallestWeb Least
	// Holes are the ways of making a hole; the first that fits a hole is taken. The last fits every hole.
	Holes []HoleRule
}

// Files says how the shop wants cut files.
type Files struct {
	Versions []Version
	Inch     bool
	Grouping Grouping
	GapMM    float64 // between the pieces of one file
	Naming   string  // pattern of a part's file name, without its ending: words and the fields of NameFields in braces
	Layers   Layers
}

// NameFields are the fields of a file name's pattern.
func NameFields() []string {
	return []string{"mark", "thickness", "material", "quantity", "units", "job", "revision"}
}

// Layers are the names of a cut file's layers. What has no layer is left out; only the cut layer has to be.
type Layers struct{ Cut, Etch, Bend, Centre string }

// Marks says how part marks are drawn.
type Marks struct {
	Style    MarkStyle
	HeightMM float64 // of the letters; smaller where a plate has no room
}

// Least is a length that grows with the plate: PerThickness times its thickness, and no less than MM.
type Least struct{ PerThickness, MM float64 }

// At is the length for a plate.
func (l Least) At(thicknessMM float64) float64 { return max(l.PerThickness*thicknessMM, l.MM) }

// Make says how a hole comes about.
type Make string

const (
	ToSize    Make = "cut to size"
	Undersize Make = "cut undersize"   // and then drilled or reamed to size
	PilotOnly Make = "pilot"           // a small hole for the drill
	PunchOnly Make = "punch mark only" // the centre is marked, nothing is cut
	AsDrawn   Make = "as drawn"        // as the bracket's own parameters have it
)

// Makes lists every way.
func Makes() []Make { return []Make{ToSize, Undersize, PilotOnly, PunchOnly, AsDrawn} }

// HoleRule is how the shop makes some of the holes. Every condition that is given has to hold; nought is none.
type HoleRule struct {
	For           []part.Purpose // any when empty
	UnderPerThick float64        // finished diameter under so many thicknesses
	UnderMM       float64        // finished diameter under this
	OverThickMM   float64        // plate thicker than this
	Make          Make
	LessMM        float64     // Undersize: how much is left to take off the diameter
	PilotMM       float64     // PilotOnly: diameter of the pilot
	Then          part.Finish // Undersize, PilotOnly, PunchOnly: how it reaches its size
}
