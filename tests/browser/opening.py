"""How the tests open a page: at a width, in a colour scheme, once its controls are there."""

from playwright.sync_api import Browser, Page


def open_page(browser: Browser, address: str, width: int, scheme: str = "light") -> Page:
    context = browser.new_context(
        viewport={"width": width, "height": 900},
        color_scheme="dark" if scheme == "dark" else "light",
    )
    page = context.new_page()
    page.goto(address, wait_until="load")
    page.wait_for_selector("html[data-enhanced]", state="attached")
    return page
