from service.web.example import example_survey
from tests.examples_of import example_a


def test_the_example_of_contract_and_demo_is_the_first_worked_example() -> None:
    """Example A of `knowledge/worked-examples.md`, every field that a firm quote needs measured."""
    assert example_survey() == example_a()
