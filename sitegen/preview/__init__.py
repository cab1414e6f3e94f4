"""The site while it is being written: a local server that makes pages and follows each save."""
