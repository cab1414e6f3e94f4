"""Codes for faults found in: site."""

from sitegen.diagnostics.catalogue.code import Code

SITE_CODES: tuple[Code, ...] = (
    Code("settings-syntax", "error", "", "", ""),
    Code("settings-field", "error", "", "", ""),
    Code("settings-value", "error", "", "", ""),
    Code("settings-missing", "error", "", "", ""),
    Code("address-unusable", "error", "", "", ""),
    Code("address-double", "error", "", "", ""),
    Code("address-reserved", "error", "", "", ""),
    Code("content-link", "error", "", "", ""),
    Code("content-unreadable", "error", "", "", ""),
    Code("content-stray", "warning", "", "", ""),
)
