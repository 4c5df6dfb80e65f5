package wire

// A refused call is told in the headers that end it, and clients of other makes take 8 KiB of these. What would not fit is told as far as it does.

import (
	"encoding/base64"
	"fmt"
	"strings"
	"unicode/utf8"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

// mostTold bounds the bytes of these headers, so that others have room beside them.
const mostTold = 6 << 10

// longestText is what a text of the one field, or of the one sentence, that does not fit begins to be cut at.
const longestText = 1 << 10

// refusal is the status of a problem: with all of its words where they fit, else with as many whole fields as do, the first of them in the message; a single field that is
// too long is cut. Nothing is made of texts that are too long as they stand.
func refusal(code codes.Code, problem *pb.Problem, reason string) *status.Status {
	if len(problem.Message) <= mostTold && mayFit(problem.Fields, mostTold) == len(problem.Fields) {
		if s := detailed(code, problem.Message, problem, reason); toldBytes(s) <= mostTold {
			return s
		}
	}
	before := beforeFields(problem)
	for n := mayFit(problem.Fields, mostTold-len(before)); n > 0; n-- {
		if s := detailed(code, inShort(problem, n), firstFields(problem, before, n), reason); toldBytes(s) <= mostTold {
			return s
		}
	}
	for most := longestText; ; most /= 2 {
		kept := cut(problem, most)
		if s := detailed(code, kept.Message, kept, reason); toldBytes(s) <= mostTold {
			return s
		}
	}
}

// mayFit is how many of the first fields have texts of no more than so many bytes together.
func mayFit(fields []*pb.FieldProblem, bytes int) int {
	for i, f := range fields {
		if bytes -= len(f.Field) + len(f.Found) + len(f.Accept); bytes < 0 {
			return i
		}
	}
	return len(fields)
}

func detailed(code codes.Code, message string, problem *pb.Problem, reason string) *status.Status {
	s := status.New(code, message)
	info := &errdetails.ErrorInfo{Reason: reason, Domain: errorDomain}
	out, err := s.WithDetails(info, problem)
	if len(problem.Fields) > 0 {
		out, err = s.WithDetails(badRequest(problem), info, problem)
	}
	if err != nil {
		return s
	}
	return out
}

// toldBytes is what the headers of a status take: the message with percent signs, all of it with its details in base 64, and 32 bytes for each header as HTTP/2 counts them.
func toldBytes(s *status.Status) int {
	const three = 3*32 + len("grpc-status"+"16"+"grpc-message"+"grpc-status-details-bin")
	message := 0
	for _, b := range []byte(s.Message()) {
		if b >= ' ' && b <= '~' && b != '%' {
			message++
		} else {
			message += len("%0A")
		}
	}
	return three + message + base64.RawStdEncoding.EncodedLen(proto.Size(s.Proto()))
}

// beforeFields is what a problem's message says before the words of its fields.
func beforeFields(p *pb.Problem) string {
	before, _, ok := strings.Cut(p.Message, decodeFields(p.Fields).Error())
	if !ok {
		return ""
	}
	return before
}

// firstFields is a problem with no more than its first fields; the last of them says how many follow.
func firstFields(p *pb.Problem, before string, n int) *pb.Problem {
	if n >= len(p.Fields) {
		return p
	}
	kept := decodeFields(p.Fields[:n])
	kept[n-1].Accept += toFollow(p, n)
	return &pb.Problem{Message: before + kept.Error(), Fields: encodeFields(kept)}
}

// toFollow says how many fields there are after the first n, in words that go on with those of the last of these.
func toFollow(p *pb.Problem, n int) string {
	if n >= len(p.Fields) {
		return ""
	}
	return "; " + moreFields(len(p.Fields)-n, len(p.Fields) >= maxRefused)
}

func moreFields(n int, atLeast bool) string {
	switch {
	case atLeast:
		return fmt.Sprintf("and at least %d more fields are refused", n)
	case n == 1:
		return "and one more field is refused"
	}
	return fmt.Sprintf("and %d more fields are refused", n)
}

// inShort is the message beside details that have the first n fields of a problem.
func inShort(p *pb.Problem, n int) string {
	first := decodeFields(p.Fields[:1]).Error()
	if more := len(p.Fields) - 1; more > 0 {
		first += fmt.Sprintf("\n%s; the details have the first %d", moreFields(more, len(p.Fields) >= maxRefused), n)
	}
	return first
}

// cut is a problem with the first of its fields, or none, and no text longer than most bytes.
func cut(p *pb.Problem, most int) *pb.Problem {
	if len(p.Fields) == 0 {
		return &pb.Problem{Message: shortened(p.Message, most)}
	}
	f := p.Fields[0]
	fields := part.FieldErrors{{Field: shortened(f.Field, most), Found: shortened(f.Found, most), Accept: shortened(f.Accept+toFollow(p, 1), most)}}
	return &pb.Problem{Message: fields.Error(), Fields: encodeFields(fields)}
}

// shortened is the first and the last of a text that is too long; what to do about it often stands at its end.
func shortened(s string, most int) string {
	const gap = " ... "
	if len(s) <= most {
		return s
	}
	from, to := (most-len(gap))/2, len(s)-(most-len(gap))/2
	for from > 0 && !utf8.RuneStart(s[from]) {
		from--
	}
	for to < len(s) && !utf8.RuneStart(s[to]) {
		to++
	}
	return s[:from] + gap + s[to:]
}
