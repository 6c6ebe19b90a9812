package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Categories;
import org.bayhold.support.OnH2;

class CategoriesOnH2Test extends Categories implements OnH2 {}
