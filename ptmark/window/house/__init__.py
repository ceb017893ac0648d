"""The form in which a customer's own rules are written, with their examples."""
