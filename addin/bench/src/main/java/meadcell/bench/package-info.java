/** Benchmarks: what is timed here is never asserted in a test. */
package meadcell.bench;
