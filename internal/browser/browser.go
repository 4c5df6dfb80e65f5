// Package browser opens pages in headless Chromium for tests, and gathers what a page complains of and asks for. Nothing but tests imports it.
package browser

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"lugwright/internal/peer"
)

// Page is a page in a window of 1100 x 900 px.
type Page struct {
	t   testing.TB
	ctx context.Context

	lock          sync.Mutex
	faults, asked []string
}

// File opens a page from a file, with its scripts or without.
func File(t testing.TB, data []byte, scripts bool) *Page {
	t.Helper()
	path := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return Open(t, "file://"+path, scripts)
}

// all is the one browser of a test program; its pages are tabs.
var all struct {
	sync.Mutex
	ctx   context.Context
	close []context.CancelFunc
}

// Main runs the tests of a package that opens pages, and closes the browser.
func Main(m *testing.M) int {
	defer func() {
		for _, f := range slices.Backward(all.close) {
			f()
		}
	}()
	return m.Run()
}

// started is the browser, started for the first page. The test is skipped, or fails, where Chromium is missing.
func started(t testing.TB) context.Context {
	program := peer.NeedCommand(t, "chromium")
	all.Lock()
	defer all.Unlock()
	if all.ctx == nil {
		options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(program), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.WindowSize(1100, 900))
		ctx, first := chromedp.NewExecAllocator(context.Background(), options...)
		ctx, second := chromedp.NewContext(ctx)
		all.ctx, all.close = ctx, []context.CancelFunc{first, second}
		if err := chromedp.Do(ctx); err != nil {
			t.Fatal(err)
		}
	}
	return all.ctx
}

// Open opens an address.
func Open(t testing.TB, address string, scripts bool) *Page {
	t.Helper()
	ctx, cancel := chromedp.NewContext(started(t))
	t.Cleanup(cancel)
	p := &Page{t: t, ctx: ctx}
	p.must(chromedp.Listen(ctx, p.note))
	_, err := chromedp.Call(ctx, network.Enable, network.EnableParams{})
	p.must(err)
	_, err = chromedp.Call(ctx, log.Enable, cdp.Empty{})
	p.must(err)
	if !scripts {
		_, err = chromedp.Call(ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
		p.must(err)
	}
	p.must(chromedp.Do(ctx, chromedp.Navigate(address)))
	return p
}

func (p *Page) note(event any) {
	p.lock.Lock()
	defer p.lock.Unlock()
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		p.faults = append(p.faults, e.ExceptionDetails.Text)
	case *runtime.EventConsoleAPICalled:
		p.faults = append(p.faults, "console."+string(e.Type))
	case *log.EventEntryAdded:
		p.faults = append(p.faults, e.Entry.Text)
	case *network.EventRequestWillBeSent:
		p.asked = append(p.asked, e.Request.URL)
	}
}

// Faults is what stands on the page's console.
func (p *Page) Faults() []string {
	p.lock.Lock()
	defer p.lock.Unlock()
	return slices.Clone(p.faults)
}

// Asked are the addresses that the page asked for, its own first.
func (p *Page) Asked() []string {
	p.lock.Lock()
	defer p.lock.Unlock()
	return slices.Clone(p.asked)
}

func (p *Page) must(err error) {
	p.t.Helper()
	if err != nil {
		p.t.Fatal(err)
	}
}

// Eval gives what an expression is in the page.
func Eval[T any](p *Page, expression string) T {
	p.t.Helper()
	out, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		p.t.Fatalf("%s: %v", expression, err)
	}
	return out
}

// Seen are the words that a reader sees, whether scripts run or not.
func (p *Page) Seen() string {
	p.t.Helper()
	text, err := chromedp.Run(p.ctx, chromedp.Text(chromedp.CSS("body")))
	p.must(err)
	return text
}

// Await waits until a reader sees all of these words, over reloads of the page, and gives what is seen.
func (p *Page) Await(words ...string) string {
	p.t.Helper()
	var text string
	var err error
	for end := time.Now().Add(time.Minute); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		if text, err = chromedp.Run(p.ctx, chromedp.Text(chromedp.CSS("body"))); err != nil {
			continue // it is being loaded
		}
		if !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(text, w) }) {
			return text
		}
	}
	p.t.Fatalf("the page does not show all of %q, but (%v):\n%s", words, err, text)
	return ""
}

// middle scrolls an element into view and gives its middle.
func (p *Page) middle(selector string) (x, y float64) {
	at := Eval[[]float64](p, fmt.Sprintf(`(() => { const e = document.querySelector(%s); e.scrollIntoView({block: "center"}); const r = e.getBoundingClientRect(); return [r.x + r.width/2, r.y + r.height/2] })()`, quoted(selector)))
	return at[0], at[1]
}

func quoted(s string) string {
	text, _ := json.Marshal(s) //nolint:errcheck // a string has a form
	return string(text)
}

// Hover moves the mouse over the middle of an element.
func (p *Page) Hover(selector string) {
	p.t.Helper()
	x, y := p.middle(selector)
	p.must(chromedp.Do(p.ctx, chromedp.MouseEvent("mouseMoved", x, y)))
}

// Click clicks the middle of an element.
func (p *Page) Click(selector string) {
	p.t.Helper()
	x, y := p.middle(selector)
	p.must(chromedp.Do(p.ctx, chromedp.MouseClickXY(x, y)))
}

// Type clicks an element and types.
func (p *Page) Type(selector, keys string) {
	p.t.Helper()
	p.Click(selector)
	p.must(chromedp.Do(p.ctx, chromedp.KeyEvent(keys)))
}

// Narrow makes the window so wide.
func (p *Page) Narrow(px int64) {
	p.t.Helper()
	p.must(chromedp.Do(p.ctx, chromedp.EmulateViewport(px, 900)))
}

// Print prints the page on the paper that it asks for.
func (p *Page) Print() []byte {
	p.t.Helper()
	data, err := chromedp.Run(p.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	p.must(err)
	return data
}
