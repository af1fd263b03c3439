# SPDX-License-Identifier: GPL-3.0-or-later
# The typefaces of printed pages, taken into the program when it is built: the page is the same on every machine.
set(PRINT_FONT_DIR /usr/share/fonts/truetype/open-sans CACHE PATH "Where OpenSans-Regular.ttf is")
set(PRINT_MONO_DIR /usr/share/fonts/truetype/dejavu CACHE PATH "Where DejaVuSansMono.ttf is")

function(print_need_font file package)
  if(NOT EXISTS "${file}")
    message(FATAL_ERROR "The typeface ${file} is missing. Install it with: apt install ${package}")
  endif()
endfunction()

set(PRINT_FONT_REGULAR ${PRINT_FONT_DIR}/OpenSans-Regular.ttf)
set(PRINT_FONT_SEMIBOLD ${PRINT_FONT_DIR}/OpenSans-Semibold.ttf)
set(PRINT_FONT_MONO ${PRINT_MONO_DIR}/DejaVuSansMono.ttf)
print_need_font(${PRINT_FONT_REGULAR} fonts-open-sans)
print_need_font(${PRINT_FONT_SEMIBOLD} fonts-open-sans)
print_need_font(${PRINT_FONT_MONO} fonts-dejavu-core)

configure_file(${CMAKE_CURRENT_LIST_DIR}/fonts.qrc.in ${CMAKE_CURRENT_BINARY_DIR}/print_fonts.qrc @ONLY)
