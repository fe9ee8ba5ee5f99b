"""The version, a constant: asking the installed package for it would cost more than the rest of the start."""

VERSION = "0.1.0"
