"""Every run draws the same bodies, so that a failure comes of a change; the quick tests draw fewer.

`pytest --hypothesis-profile=default` draws others each time. Nothing is timed: a busy machine is no failure.
"""

import pytest
from hypothesis import HealthCheck, settings

QUICK = "not slow"
"""What `pytest -m` is asked for the quick tests."""

settings.register_profile(
    "same bodies", derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("few bodies", settings.get_profile("same bodies"), max_examples=5)
settings.load_profile("same bodies")


def pytest_configure(config: pytest.Config) -> None:
    if config.option.markexpr == QUICK and not config.getoption("--hypothesis-profile"):
        settings.load_profile("few bodies")
