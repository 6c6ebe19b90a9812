package org.bayhold.drives;

/** The sentences of the bundle, as the pictures ask for them. */
@FunctionalInterface
interface Words {
    String say(String key, Object... arguments);
}
