from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from service.cutting.labels import natural_key, spread


def test_numbers_in_labels_count_as_numbers() -> None:
    labels = ["U-10", "B-R10", "B-R2", "B-R1a", "B-R1"]

    assert ["B-R1", "B-R1a", "B-R2", "B-R10", "U-10"] == sorted(labels, key=natural_key)


@given(st.lists(st.text(max_size=6), max_size=6))
def test_any_labels_can_be_ordered_and_only_equal_ones_are_equal(labels: list[str]) -> None:
    backwards = labels[::-1]

    assert sorted(labels, key=natural_key) == sorted(backwards, key=natural_key)
    assert len(set(labels)) == len({natural_key(label) for label in labels})


def test_every_label_comes_as_often_as_it_counts() -> None:
    assert ["a1", "a1", "a2", "a10"] == spread([("a10", 1), ("a2", 1), ("a1", 2)])
