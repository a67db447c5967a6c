"""Every run draws the same bodies, so that a failure comes of a change.

`pytest --hypothesis-profile=default` draws others each time.
"""

from hypothesis import settings

settings.register_profile("same bodies", derandomize=True)
settings.load_profile("same bodies")
