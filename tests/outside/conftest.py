"""The one way in which a test of this folder holds ours against published rows."""

from __future__ import annotations

import pytest

from tests.outside.agreement import Agreement
from tests.outside.table import PROPERTY


@pytest.fixture
def agree(request: pytest.FixtureRequest) -> Agreement:
    """Give what asserts agreement and records it; the report of the test carries the record to the table."""
    agreement = Agreement()
    # The list is filled while the test runs and read when it has ended.
    request.node.user_properties.append((PROPERTY, agreement.records))
    return agreement
