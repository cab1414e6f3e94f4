"""`python -m sitegen` is the command sitegen."""

from sitegen.cli import run

if __name__ == "__main__":
    run()
