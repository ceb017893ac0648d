"""The photos of one inspection: which there are, what several of them show, how dye grew."""
