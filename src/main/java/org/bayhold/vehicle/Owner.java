package org.bayhold.vehicle;

import org.bayhold.journal.Personal;
import org.jspecify.annotations.Nullable;

/** The owner of a car, as the record refers to him. */
record Owner(
        Personal name, @Nullable Personal phone, @Nullable Personal email) {}
