package batch

import (
	"context"
	"errors"
	"io"
	"math"
	"time"

	"lugwright/client/family"
	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/services/dial"
)

// Input is what a run takes.
type Input struct {
	Client   *dial.Client
	Family   *family.Family
	Patience time.Duration // how long a service may give no answer; 0: dial's own
	After    int64         // variants that have their rows already
	// Take gets the rows in order, those of one message at a time. They are good until it returns.
	Take func([]Row) error
}

// Run gives every variant its row. It returns early when a service no longer answers, when rows are not taken, or when the context ends; rows taken before that
// are whole and in order.
func Run(ctx context.Context, in Input) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	density, err := run.ReadDensities(ctx, in.Client)
	if err != nil {
		return err
	}
	r := &runner{Input: in, variants: in.Client.Variants(&in.Family.Shop, question(in.Family.Job), in.Patience), density: density}
	atOnce := in.Client.InFlight() // the services have answered, so a name's replicas are known
	// So many may be finished or on their way before the oldest of them is: one that waits for a dead replica does not stop the others.
	ahead := 4 * atOnce
	queue, slots := make(chan *message, ahead), make(chan struct{}, atOnce)
	free := make(chan *message, ahead+2)
	go func() {
		defer close(queue)
		if err := r.read(ctx, free, queue, slots); err != nil {
			cancel(err)
		}
	}()
	for whole := true; ; {
		m, ok := <-queue
		if !ok {
			return context.Cause(ctx)
		}
		<-m.done
		if whole && m.err == nil { // after a stop too: what is finished, up to the first that is not
			m.err = in.Take(m.rows)
		}
		if m.err != nil {
			whole = false
			cancel(m.err)
		}
		select {
		case free <- m:
		default:
		}
	}
}

// question is how every bracket of the family is checked.
func question(j *job.Job) dial.CheckRequest { return run.Question(j, &j.Brackets[0]) }

type runner struct {
	Input
	variants *dial.Variants
	density  run.Densities
}

// message is the variants that go together, and their rows.
type message struct {
	rows []Row
	err  error
	done chan struct{}
}

// size is how many variants a message takes: all that it may, unless there are too few variants to keep every message on its way.
func (r *runner) size(atOnce int64) int {
	left := r.Family.Count - r.After
	return int(min(int64(r.Client.PerMessage()), max(1, (left+2*atOnce-1)/(2*atOnce))))
}

// read makes messages of the variants and sends each on its way.
func (r *runner) read(ctx context.Context, free, queue chan *message, slots chan struct{}) error {
	all, err := r.Family.From(r.After)
	if err != nil {
		return err
	}
	for size := r.size(int64(cap(slots))); ; {
		var m *message
		select {
		case m = <-free:
		default:
			m = &message{rows: make([]Row, 0, size)}
		}
		m.err, m.done = nil, make(chan struct{})
		end, err := m.fill(all, size)
		if err != nil {
			return err
		}
		if len(m.rows) > 0 {
			select {
			case slots <- struct{}{}:
			case <-ctx.Done():
				return nil
			}
			go func() {
				defer func() { <-slots; close(m.done) }()
				m.err = r.answer(ctx, m.rows)
			}()
			select {
			case queue <- m:
			case <-ctx.Done():
				<-m.done
				return nil
			}
		}
		if end {
			return nil
		}
	}
}

// fill takes the next variants, and says whether they were the last.
func (m *message) fill(all family.Variants, size int) (end bool, err error) {
	m.rows = m.rows[:0]
	for len(m.rows) < size {
		v, err := all.Next()
		if errors.Is(err, io.EOF) {
			return true, nil
		}
		if err != nil {
			return false, err
		}
		m.rows = m.rows[:len(m.rows)+1]
		m.rows[len(m.rows)-1].begin(v)
	}
	return false, nil
}

// answer asks the services for what can be asked.
func (r *runner) answer(ctx context.Context, rows []Row) error {
	requests, asked := make([]geometry.Request, 0, len(rows)), make([]*Row, 0, len(rows))
	b := &r.Family.Brackets[0]
	for i := range rows {
		if rows[i].Reason == "" {
			requests = append(requests, geometry.Request{Kind: b.Kind, Name: b.Name, Mark: b.Mark, Hand: b.Hand, Params: rows[i].params})
			asked = append(asked, &rows[i])
		}
	}
	if len(requests) == 0 {
		return nil
	}
	answers, err := r.variants.Some(ctx, requests)
	if err != nil {
		return err
	}
	for i := range answers {
		asked[i].finish(&answers[i], r.mass(answers[i].Volumes), r.Family.Units)
	}
	return nil
}

// mass is in kg, NaN where a material has no density.
func (r *runner) mass(volumes []part.Volume) float64 {
	kg, err := r.density.KG(volumes)
	if err != nil {
		return math.NaN()
	}
	return kg
}
