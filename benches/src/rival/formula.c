/* The literal formulas, as one would write them into a program. */
double formula_per_seed(double rate, double size);
double formula_cells(double titre, double dose, double recovery);

double formula_per_seed(double rate, double size) { return rate / size; }
double formula_cells(double titre, double dose, double recovery) { return titre * dose * recovery; }
