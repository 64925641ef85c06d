"""Water density against printed values and the gsw package (TEOS-10)."""

import gsw
import pytest

from model.design import Water
from model.water.density import density, fresh_density, water_density

TANAKA_PRINTED = {
    # Tanaka et al., Metrologia 38 (2001) 301-309, as printed in two public tables of that formula
    0: 999.8428,
    4: 999.97495,
    10: 999.7027,
    15: 999.1026,
    20: 998.20675,
    30: 995.6488,
}
IAPWS_95 = {0: 999.8431, 5: 999.9666, 15: 999.1026, 22: 997.7735, 27: 996.5158, 35: 994.0333, 40: 992.2164}
"""[kg/m3] at 101325 Pa, printed by two packages of the IAPWS-95 formulation."""
EOS80_CHECKS = {(35, 5): 1027.67547, (35, 15): 1025.97275, (35, 25): 1023.34306}
"""UNESCO Technical Papers in Marine Science 44 (1983): check values at p = 0; the middle one is of the same
formula (a public reference page prints 1025.973)."""


@pytest.mark.parametrize(("temperature", "printed"), TANAKA_PRINTED.items())
def test_pure_water_as_tanaka_prints_it(temperature: int, printed: float):
    assert fresh_density(temperature) == pytest.approx(printed, abs=1e-4)


@pytest.mark.parametrize(("temperature", "printed"), IAPWS_95.items())
def test_pure_water_by_another_formulation(temperature: int, printed: float):
    assert fresh_density(temperature) == pytest.approx(printed, abs=2e-3)


@pytest.mark.parametrize(("water", "printed"), EOS80_CHECKS.items())
def test_sea_water_as_unesco_prints_it(water: tuple[int, int], printed: float):
    salinity, temperature = water
    assert density(temperature, salinity) == pytest.approx(printed, abs=2e-3)


@pytest.mark.parametrize("salinity", [0.0, 0.5, 3.2, 5.0, 20.0, 35.0])
@pytest.mark.parametrize("temperature", [0.0, 10.0, 20.0, 27.0, 28.0, 35.0])
def test_pool_and_sea_water_as_gsw_has_it(temperature: float, salinity: float):
    """The two scales of salinity differ by 0.5 %: 35 of the one are 35.16504 g/kg of the other."""
    expected = gsw.rho_t_exact(salinity * 35.16504 / 35, temperature, 0.0)  # TEOS-10, at the surface
    assert density(temperature, salinity) == pytest.approx(expected, abs=0.02)


def test_the_water_of_a_brief_is_the_water_that_counts():
    """A fresh pool of 27 deg C, 0.5 g/kg: 996.5151 (Tanaka) and 0.37 for the salts (gsw)."""
    assert water_density(Water(temperature=27, salinity=0.5)) == pytest.approx(996.515 + 0.37, abs=0.02)
    warm, cold = (water_density(Water(temperature=t, salinity=0)) for t in (30, 20))
    assert (warm - cold) / cold == pytest.approx(-0.00256, abs=1e-5)  # of Tanaka's values above
