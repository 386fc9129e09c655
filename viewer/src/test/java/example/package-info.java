/** What others may write with the library: uses its public packages alone. */
package example;
