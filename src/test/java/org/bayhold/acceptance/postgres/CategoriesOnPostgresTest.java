package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Categories;
import org.bayhold.support.OnPostgres;

class CategoriesOnPostgresTest extends Categories implements OnPostgres {}
