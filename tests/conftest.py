"""Every run draws the same bodies, so that a failure comes of a change.

`pytest --hypothesis-profile=default` draws others each time. Nothing is timed: a busy machine is no failure.
"""

from hypothesis import HealthCheck, settings

settings.register_profile(
    "same bodies", derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("same bodies")
