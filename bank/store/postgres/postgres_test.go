package postgres_test

import (
	"context"
	"fmt"
	"os"
	"sync/atomic"
	"testing"

	"evenhand/bank/store"
	"evenhand/bank/store/postgres"
	"evenhand/bank/store/storetest"
)

var (
	background = context.Background()
	banks      atomic.Int64
)

var maker = storetest.Maker{
	Place: func(t testing.TB) string {
		return storetest.SharedServer(t).Address(fmt.Sprintf("bank-%d", banks.Add(1)))
	},
	Create: func(address string, layOut func(store.Writer) error) error {
		return postgres.Create(background, address, store.Options{}, layOut)
	},
	Open: func(address string, o store.Options) (store.Store, error) {
		return postgres.Open(background, address, o)
	},
	Shared: true,
}

func TestLaws(t *testing.T) {
	storetest.SharedServer(t)
	storetest.Laws(t, maker)
}

func TestMain(m *testing.M) { os.Exit(storetest.Main(m, maker)) }
