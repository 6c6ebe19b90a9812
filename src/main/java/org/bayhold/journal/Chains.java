package org.bayhold.journal;

import java.util.UUID;

/** The chains that exist from the first start on. */
public final class Chains {
    /** Policy and categories. Its head is also the shop's epoch row: whoever decides on them holds it shared. */
    public static final UUID SHOP = UUID.fromString("00000000-0000-7000-8000-000000000001");

    /** Users and tokens. */
    public static final UUID IDENTITY = UUID.fromString("00000000-0000-7000-8000-000000000002");

    private Chains() {}
}
