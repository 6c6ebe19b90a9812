package org.bayhold.architecture;

/**
 * A place that asks for a sentence of the bundle.
 *
 * @param key the key, or the prefix with its dot where the rest is computed
 * @param arguments how many arguments it gives
 * @param where file and line, for messages
 */
record KeyUse(String key, int arguments, String where) {
    boolean isPrefix() {
        return key.endsWith(".");
    }
}
