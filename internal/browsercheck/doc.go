// Package browsercheck tries in a browser the pages that this module makes.
//
// It has tests only. They drive Debian's chromium over the pages of a folder,
//
//	npm ci
//	WALEWISE_PAGES=/the/folder go test -count=1 .
//
// and over small pages under testdata, broken ones among them, that show that
// each check can fail. Every page gets the general checks, a page with steps
// also those of a work sheet. Where the browser, axe-core or Debian's
// poppler-utils is missing, or no folder is named, tests are skipped, unless
// WALEWISE_NEED_BROWSER is set.
package browsercheck
