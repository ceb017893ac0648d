"""Where the packed program starts; a worker process of its own starts here too."""

import multiprocessing
import sys

from ptmark.__main__ import main

if __name__ == "__main__":
    multiprocessing.freeze_support()
    sys.exit(main())
