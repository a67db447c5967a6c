"""Styles: what turns a block into a pair of jeans."""
