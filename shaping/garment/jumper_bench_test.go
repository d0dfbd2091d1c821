package garment_test

import (
	"runtime"
	"sync"
	"sync/atomic"
	"testing"

	"example.com/walewise/internal/bodies"
	"example.com/walewise/shaping/garment"
)

func BenchmarkJumper(b *testing.B) {
	s := percentiles(b)[2].Jumper(newGauge("22", "30", "10 cm"))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := garment.Pieces(s); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkThousandBodies plans the jumpers of a thousand made bodies, with a worker for
// each processor of -cpu.
func BenchmarkThousandBodies(b *testing.B) {
	const many = 1000
	list, err := bodies.Made(many)
	if err != nil {
		b.Fatal(err)
	}
	specs := make([]garment.Spec, many)
	for i, body := range list {
		specs[i] = body.Jumper(newGauge("22", "30", "10 cm"))
	}
	var refused atomic.Int64
	b.ReportAllocs()
	for b.Loop() {
		refused.Store(0)
		var workers sync.WaitGroup
		var next atomic.Int64
		for range runtime.GOMAXPROCS(0) {
			workers.Go(func() {
				for i := next.Add(1) - 1; i < many; i = next.Add(1) - 1 {
					if _, err := garment.Pieces(specs[i]); err != nil {
						refused.Add(1)
					}
				}
			})
		}
		workers.Wait()
	}
	b.ReportMetric(many*float64(b.N)/b.Elapsed().Seconds(), "bodies/s")
	b.ReportMetric(float64(refused.Load()), "refused")
}
