package whole

import "slices"

// unchecked is what was not asked and what the parts leave open, each once.
func (w *work) unchecked() []string {
	var out []string
	add := func(list ...string) {
		for _, s := range list {
			if !slices.Contains(out, s) {
				out = append(out, s)
			}
		}
	}
	q, a := w.q, w.a
	for _, s := range []struct {
		missing bool
		words   string
	}{
		{q.Vehicle == nil, "weights, axle loads and stability: no vehicle is stated"},
		{q.Vehicle != nil && len(q.Bodies) == 0, "loads on mounts: no body has mounts"},
		{q.Vehicle != nil && q.Reading == nil, "the roll-up against a scale: no axle reading is stated"},
		{q.Vehicle != nil && q.Frame == nil, "bending and twist of the frame: no frame is stated"},
		{q.Drilling == nil || len(q.Drilling.Rails) == 0, "drilling of the frame: no survey of the rails is stated"},
		{q.Vehicle != nil && (q.Drilling == nil || q.Drilling.SubframeFlangeMM == 0), "the subframe's flange against the frame's: its width is not stated"},
		{q.Twist == nil, "room under twist, pin withdrawal and grease access: no twist and no gaps are stated"},
		{q.Vehicle != nil && q.Lift == nil, "lifting the body: no jacks are stated"},
	} {
		if s.missing {
			add(s.words)
		}
	}
	for i := range a.Report.Bodies {
		add(a.Report.Bodies[i].Unchecked...)
	}
	if a.Frame != nil {
		add(a.Frame.Unchecked...)
	}
	for _, t := range q.Trays {
		add("rods, beams and nuts of trays: their loads are found here, whether they hold is a bracket's check")
		if len(t.Carries) > 0 {
			add("the shift of a part-full tank's contents on a tray: they count as at rest")
		}
	}
	return out
}
