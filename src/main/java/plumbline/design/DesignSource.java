package plumbline.design;

/**
 * A file that a design is read from.
 *
 * @param file as typed
 * @param sha256 lower-case hexadecimal hash of its bytes
 * @param text its decoded text
 */
public record DesignSource(String file, String sha256, String text) {}
