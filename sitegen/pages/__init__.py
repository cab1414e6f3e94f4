"""Views in, HTML out: the only room that knows jinja2."""
