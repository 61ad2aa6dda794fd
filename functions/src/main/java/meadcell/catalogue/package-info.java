/**
 * One declaration per function, many faces.
 *
 * <p>A function is a static method annotated with {@link meadcell.catalogue.CellarFunction}; its
 * parameters carry {@link meadcell.catalogue.Arg}. The {@link meadcell.catalogue.Catalogue} reads
 * the declarations of all families; a host asks a {@link meadcell.catalogue.FunctionSpec} to call
 * the function with whatever its cells hold. Counting, coercing, unit conversion and range checks
 * happen there, once, so every host refuses the same input with the same sentence.
 */
package meadcell.catalogue;
