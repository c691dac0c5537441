"""The entry point by which MkDocs finds the theme `hubwright`."""

from hubwright.places import data_directory

# MkDocs takes the directory of the named module's __file__; ours lies beside the package in a checkout.
__file__ = str(data_directory("site_templates") / "__init__.py")
