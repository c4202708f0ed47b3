"""Levels of a shelf against published tables, examples and an independent implementation."""

from __future__ import annotations

import pytest
from scipy import stats

from rimbook.bench.shelf_poisson import at_most, enough, exactly, shortfall
from rimbook.bench.shelf_update import Gamma
from tests.checks.poisson_table import LEAST, MEANS, PRINTED


@pytest.mark.parametrize("mean", PRINTED)
def test_the_printed_table(mean: int) -> None:
    printed = [float(each) for each in PRINTED[mean].split()]
    assert [round(at_most(count, mean), 4) for count in range(len(printed))] == printed


@pytest.mark.parametrize("service", LEAST)
def test_the_least_that_is_enough(service: float) -> None:
    assert tuple(enough(mean, service) for mean in MEANS) == LEAST[service]


@pytest.mark.parametrize(
    ("hold", "lack", "mean", "least", "cost"),
    [
        # L. V. Snyder and Z.-J. M. Shen, Fundamentals of Supply Chain Theory, example 4.7
        (1, 4, 6, 8, 3.5701069457709416),
        # the newsvendor of the library stockpyl (MIT), its documentation
        (0.18, 0.70, 50, 56, 1.797235211809178),
    ],
)
def test_the_newsvendor(hold: float, lack: float, mean: float, least: int, cost: float) -> None:
    """What is left over is what is there, less what is asked for, and what lacks."""

    def costs(count: int) -> float:
        short = shortfall(count, mean)
        return hold * (count - mean + short) + lack * short

    assert enough(mean, lack / (hold + lack)) == least
    assert costs(least) == pytest.approx(cost, rel=1e-12)
    assert costs(least) <= min(costs(least - 1), costs(least + 1))


def test_the_newsvendor_with_too_little() -> None:
    """The same example 4.7 with 5 in place of 8."""
    short = shortfall(5, 6)
    assert (5 - 6 + short) + 4 * short == pytest.approx(6.590296024616343, rel=1e-12)


@pytest.mark.parametrize("mean", [0.0, 1e-9, 0.02, 0.7, 1, 3.3, 12, 99.5, 1000, 31_000, 1e5])
def test_another_implementation(mean: float) -> None:
    """scipy.stats.poisson, over the whole range of means."""
    other = stats.poisson(mean)
    for service in (0.001, 0.1, 0.5, 0.8, 0.9, 0.95, 0.995, 0.999999):
        count = enough(mean, service)
        assert count == other.ppf(service) if mean else count == 0
        assert at_most(count, mean) == pytest.approx(other.cdf(count), rel=1e-9)
        assert exactly(count, mean) == pytest.approx(other.pmf(count), rel=1e-8)
        lacking = mean * other.sf(count - 1) - count * other.sf(count)
        assert shortfall(count, mean) == pytest.approx(lacking, rel=1e-6, abs=1e-7)


def test_independent_demands_add_up() -> None:
    """The convolution of two Poisson distributions is the one of the sum of their means."""
    for count in range(12):
        joined = sum(exactly(own, 1.3) * exactly(count - own, 2.4) for own in range(count + 1))
        assert joined == pytest.approx(exactly(count, 3.7), rel=1e-12)


@pytest.mark.parametrize(
    ("total", "counted", "mean", "low", "high"),
    # P. D. Hoff, A First Course in Bayesian Statistical Methods, section 3.2, prior Gamma(2, 1): from memory.
    [(217, 111, 1.955357, 1.704943, 2.222679), (66, 44, 1.511111, 1.173437, 1.890836)],
)
def test_a_rate_is_learned(total: int, counted: int, mean: float, low: float, high: float) -> None:
    found = Gamma(2, 1).seen(total, counted)
    assert found.mean == pytest.approx(mean, abs=5e-7)
    interval = stats.gamma(found.shape, scale=1 / found.rate).ppf([0.025, 0.975])
    assert interval == pytest.approx([low, high], abs=5e-7)


@pytest.mark.parametrize("service", [0, 1, -0.1, 1.2, float("nan")])
def test_no_service_level_beyond_the_possible(service: float) -> None:
    with pytest.raises(ValueError, match="expected a number between 0 and 1"):
        enough(1, service)


@pytest.mark.parametrize("mean", [-1.0, 1.1e5, float("nan"), float("inf")])
def test_no_demand_beyond_the_possible(mean: float) -> None:
    with pytest.raises(ValueError, match="expected a number from 0"):
        at_most(1, mean)
