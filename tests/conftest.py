"""The same for every test: the window's texts are read in English, whoever runs them."""

import os

os.environ["PTMARK_LANGUAGE"] = "en"
