"""The list of indications, and what can be done to one: its outline, its size, its budget."""
