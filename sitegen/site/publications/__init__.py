"""What a site publishes beside its pages, for readers of feeds, searchers and other programs."""
