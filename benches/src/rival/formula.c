/* The literal formulas, as one would write them into a program. */
double formula_per_seed(double rate, double size);
double formula_cells(double titre, double dose, double recovery);
double formula_needed(double rate, double mass);

double formula_per_seed(double rate, double size) { return rate / size; }
double formula_cells(double titre, double dose, double recovery) { return titre * dose * recovery; }
double formula_needed(double rate, double mass) { return rate * mass; }
