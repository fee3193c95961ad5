"""``python -m loopwright`` is the command ``loopwright``."""

from loopwright.cli import main

if __name__ == "__main__":
    main()
