/**
 * Any bytes at all go into the readers: they are read, or refused in a sentence of the tool's own.
 *
 * <p>One class per reader, tagged {@code fuzz}, with one method of the same shape: bytes in, {@link
 * io.github.roundstar.fuzz.Refusal} around the reader. The corpus of a class lies in the test
 * resources, in {@code fuzz/ClassNameInputs/methodName}; each file there is replayed in every
 * build.
 */
package io.github.roundstar.fuzz;
