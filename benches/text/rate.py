"""Processor seconds that a general-purpose library takes to read a rate, told on one line."""
import time

import pint

TEXT = "2.5 floz/cwt"
MANY = 300

units = pint.UnitRegistry()
read = lambda: units.Quantity(TEXT).to("m**3/kg").magnitude
# 2.5 x 29.5735295625 mL in 45.359237 kg.
assert abs(read() - 2.5 * 29.5735295625e-6 / 45.359237) < 1e-15
start = time.process_time()
for _ in range(MANY):
    read()
print((time.process_time() - start) / MANY)
