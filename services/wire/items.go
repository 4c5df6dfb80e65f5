package wire

import (
	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
)

// Items is how many brackets a request asks for: 1 where it is no batch.
func Items(q any) int {
	switch q := q.(type) {
	case *geometrypb.BuildBracketsRequest:
		return len(q.GetOrders())
	case *strengthpb.CheckBracketsRequest:
		return len(q.GetItems())
	}
	return 1
}
