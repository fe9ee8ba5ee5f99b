"""What a command says when it was asked for something that cannot be."""

from __future__ import annotations


class WrongUseError(Exception):
    """The command line asks for what cannot be done; the message says what and how to ask instead."""
