"""Inglewright: from a room survey to a false chimney breast that can be sold and built."""
