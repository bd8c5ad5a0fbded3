package plumbline.design;

import plumbline.yaml.Position;

/**
 * A wanted value and where the design says so.
 *
 * @param value what is wanted
 * @param at the place of the key's value
 * @param <T> type of the value
 */
public record Wanted<T>(T value, Position at) {}
