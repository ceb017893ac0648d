"""The photo on the screen: its levels, what is drawn over it, and how it is moved about."""
