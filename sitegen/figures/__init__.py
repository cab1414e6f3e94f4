"""Diagrams of a page as plain SVG and values: colours and fonts are the page's."""
