"""The bill stage: frame and cutting plan become what to buy, by code and pack."""

from service.bill.bill import Bill, BillLine, Counts, LineGroup, Measures
from service.bill.board_screws import ScrewPlace, place_screws
from service.bill.market import Market
from service.bill.take_off import take_off

__all__ = ["Bill", "BillLine", "Counts", "LineGroup", "Market", "Measures", "ScrewPlace", "place_screws", "take_off"]
