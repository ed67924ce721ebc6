from service.workers import example_bytes, example_survey
from tests.examples_of import example_a


def test_the_example_of_contract_and_demo_is_the_first_worked_example() -> None:
    """Example A of `knowledge/worked-examples.md`, every field that a firm quote needs measured."""
    assert example_survey() == example_a()


def test_the_example_is_sent_as_it_stands_in_its_file() -> None:
    assert example_bytes().endswith(b"}\n")
