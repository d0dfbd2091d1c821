// Package gen generates random values for property tests, valid by construction.
package gen
